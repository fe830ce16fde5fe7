@NullMarked
package io.github.tiderule.api.json;

import org.jspecify.annotations.NullMarked;
