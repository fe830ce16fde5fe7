/**
 * What a page shows of a season: the answer in force, its days, what was entered and what changed.
 */
@NullMarked
package io.github.tiderule.api.page.plan;

import org.jspecify.annotations.NullMarked;
