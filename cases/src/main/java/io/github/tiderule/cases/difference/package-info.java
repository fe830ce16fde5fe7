/**
 * What a change of rules or parameters changes in the advice on cases, in words; and every answer
 * of a version of the program as files, to see whether a change of its code changes any.
 */
@NullMarked
package io.github.tiderule.cases.difference;

import org.jspecify.annotations.NullMarked;
