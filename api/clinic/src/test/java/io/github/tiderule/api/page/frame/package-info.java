@NullMarked
package io.github.tiderule.api.page.frame;

import org.jspecify.annotations.NullMarked;
