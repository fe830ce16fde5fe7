@NullMarked
package io.github.tiderule.format.problem;

import org.jspecify.annotations.NullMarked;
