/**
 * What pages, reports, pictures and paper say, by name in one file each, and how they write dates
 * and numbers. Sentences of rules stand with the rules.
 */
@NullMarked
package io.github.tiderule.api.words;

import org.jspecify.annotations.NullMarked;
