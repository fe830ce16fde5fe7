/** Eggs and plans. */
@NullMarked
package io.github.tiderule.engine.days;

import org.jspecify.annotations.NullMarked;
