@NullMarked
package io.github.tiderule.api.node;

import org.jspecify.annotations.NullMarked;
