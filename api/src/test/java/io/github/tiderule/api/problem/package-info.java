@NullMarked
package io.github.tiderule.api.problem;

import org.jspecify.annotations.NullMarked;
