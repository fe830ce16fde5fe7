/** When to test next, what that is worth, and at which values the days would change. */
@NullMarked
package io.github.tiderule.engine.testing;

import org.jspecify.annotations.NullMarked;
