/** A version of the program, loaded into this process to be asked again and again. */
@NullMarked
package io.github.tiderule.cases.difference.program;

import org.jspecify.annotations.NullMarked;
