/**
 * What rules make of a report before anything is concluded from it: its reading, or why it has to
 * wait.
 */
@NullMarked
package io.github.tiderule.rules.conclusion.reading;

import org.jspecify.annotations.NullMarked;
