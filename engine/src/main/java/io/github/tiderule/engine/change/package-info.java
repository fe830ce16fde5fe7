/** What changed between two answers about one season, and why. */
@NullMarked
package io.github.tiderule.engine.change;

import org.jspecify.annotations.NullMarked;
