@NullMarked
package io.github.tiderule.api.page;

import org.jspecify.annotations.NullMarked;
