/** A season on its way: what is on file, what rules read of it, and when she ovulates. */
@NullMarked
package io.github.tiderule.engine.season;

import org.jspecify.annotations.NullMarked;
