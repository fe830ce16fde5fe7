@NullMarked
package io.github.tiderule.format.node;

import org.jspecify.annotations.NullMarked;
