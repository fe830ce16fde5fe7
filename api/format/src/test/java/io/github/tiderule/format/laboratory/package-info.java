@NullMarked
package io.github.tiderule.format.laboratory;

import org.jspecify.annotations.NullMarked;
