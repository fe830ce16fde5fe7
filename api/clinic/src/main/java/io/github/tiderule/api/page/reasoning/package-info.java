/**
 * The reasoning behind a plan as a page shows it to a vet: from the observations through what the
 * rules made of them to the days, with every source, and what a rule of thumb would have said.
 */
@NullMarked
package io.github.tiderule.api.page.reasoning;

import org.jspecify.annotations.NullMarked;
