@NullMarked
package io.github.tiderule.api;

import org.jspecify.annotations.NullMarked;
