/** The semen she is to be bred with: kind, doses, how it looks, when it can be there. */
@NullMarked
package io.github.tiderule.rules.fact.semen;

import org.jspecify.annotations.NullMarked;
