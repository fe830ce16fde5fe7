@NullMarked
package io.github.tiderule.api.cycle;

import org.jspecify.annotations.NullMarked;
