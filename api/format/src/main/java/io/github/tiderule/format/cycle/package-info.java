/** Reading a cycle file into the engine's input, or refusing it with all its problems at once. */
@NullMarked
package io.github.tiderule.format.cycle;

import org.jspecify.annotations.NullMarked;
