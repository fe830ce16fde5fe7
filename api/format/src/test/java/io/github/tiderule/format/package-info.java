@NullMarked
package io.github.tiderule.format;

import org.jspecify.annotations.NullMarked;
