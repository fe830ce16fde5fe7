/**
 * Numbers of the trade as data: value, unit, legal range, source key, how it was read, since when.
 */
@NullMarked
package io.github.tiderule.rules.parameter;

import org.jspecify.annotations.NullMarked;
