@NullMarked
package io.github.tiderule.api.picture;

import org.jspecify.annotations.NullMarked;
