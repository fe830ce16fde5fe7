/** Rules beside the plain reckoning that they are held to. */
@NullMarked
package io.github.tiderule.cases.oracle;

import org.jspecify.annotations.NullMarked;
