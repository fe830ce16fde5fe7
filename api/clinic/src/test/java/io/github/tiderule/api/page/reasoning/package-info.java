@NullMarked
package io.github.tiderule.api.page.reasoning;

import org.jspecify.annotations.NullMarked;
