/** What was measured, seen or done in her season, as it was reported. */
@NullMarked
package io.github.tiderule.rules.fact.observation;

import org.jspecify.annotations.NullMarked;
