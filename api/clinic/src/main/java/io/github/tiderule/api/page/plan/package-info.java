/**
 * What a page shows of a season: the answer in force, its days, what was entered, what changed,
 * what is remembered, and what was signed.
 */
@NullMarked
package io.github.tiderule.api.page.plan;

import org.jspecify.annotations.NullMarked;
