/** Tests of what reports are written with. */
@NullMarked
package io.github.tiderule.api.report.text;

import org.jspecify.annotations.NullMarked;
