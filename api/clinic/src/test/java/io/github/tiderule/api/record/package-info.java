@NullMarked
package io.github.tiderule.api.record;

import org.jspecify.annotations.NullMarked;
