/**
 * Plain texts for people: the plan for a breeder, the reasoning for a vet, the rules for a reader.
 */
@NullMarked
package io.github.tiderule.api.report;

import org.jspecify.annotations.NullMarked;
