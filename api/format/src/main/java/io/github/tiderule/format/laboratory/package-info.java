/**
 * Reads a laboratory's table of progesterone values into observations of a season. What is not
 * written is never guessed: neither unit nor order of day and month nor hour.
 */
@NullMarked
package io.github.tiderule.format.laboratory;

import org.jspecify.annotations.NullMarked;
