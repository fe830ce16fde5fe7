@NullMarked
package io.github.tiderule.api.calendar;

import org.jspecify.annotations.NullMarked;
