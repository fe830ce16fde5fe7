/**
 * The rules for a reader: the whole book as text, Markdown or HTML, and the conditions of one rule
 * with what they saw.
 */
@NullMarked
package io.github.tiderule.api.report.rulebook;

import org.jspecify.annotations.NullMarked;
