/** What a kennel knows before a season: tests, litters and the male, as facts that rules match. */
@NullMarked
package io.github.tiderule.rules.kennel;

import org.jspecify.annotations.NullMarked;
