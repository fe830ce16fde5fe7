/**
 * One check of a condition: what it asks, read from the text of the rule, and whether a match meets
 * it.
 */
@NullMarked
package io.github.tiderule.rules.condition.expression;

import org.jspecify.annotations.NullMarked;
