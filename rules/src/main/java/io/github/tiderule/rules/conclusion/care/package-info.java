/**
 * What rules conclude of the care for her: cautions, checks, the day of insemination, pregnancy and
 * whelping.
 */
@NullMarked
package io.github.tiderule.rules.conclusion.care;

import org.jspecify.annotations.NullMarked;
