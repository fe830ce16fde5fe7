/** The dates of a season as an iCalendar feed (RFC 5545) that calendars can subscribe to. */
@NullMarked
package io.github.tiderule.api.calendar;

import org.jspecify.annotations.NullMarked;
