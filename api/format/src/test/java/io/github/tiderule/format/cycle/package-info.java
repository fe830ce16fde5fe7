@NullMarked
package io.github.tiderule.format.cycle;

import org.jspecify.annotations.NullMarked;
