/** What is wrong with a document: where, under which stable code, and what it may have meant. */
@NullMarked
package io.github.tiderule.format.problem;

import org.jspecify.annotations.NullMarked;
