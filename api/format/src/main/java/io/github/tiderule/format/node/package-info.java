/**
 * A JSON document read strictly into a tree, and typed access that notes every problem on the way.
 */
@NullMarked
package io.github.tiderule.format.node;

import org.jspecify.annotations.NullMarked;
