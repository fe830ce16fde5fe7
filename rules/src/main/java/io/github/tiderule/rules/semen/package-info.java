/** What is known of the semen in hand on the day of insemination, as facts that rules match. */
@NullMarked
package io.github.tiderule.rules.semen;

import org.jspecify.annotations.NullMarked;
