@NullMarked
package io.github.tiderule.api.paper;

import org.jspecify.annotations.NullMarked;
