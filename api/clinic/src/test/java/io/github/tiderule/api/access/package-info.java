@NullMarked
package io.github.tiderule.api.access;

import org.jspecify.annotations.NullMarked;
