/** What a change of rules or parameters changes in the advice on cases. */
@NullMarked
package io.github.tiderule.cases.difference;

import org.jspecify.annotations.NullMarked;
