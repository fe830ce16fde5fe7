@NullMarked
package io.github.tiderule.api.words;

import org.jspecify.annotations.NullMarked;
