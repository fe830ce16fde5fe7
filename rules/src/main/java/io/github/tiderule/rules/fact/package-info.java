/**
 * What is known about one female and her season, as immutable facts. Rules read them; nothing here
 * decides anything.
 */
@NullMarked
package io.github.tiderule.rules.fact;

import org.jspecify.annotations.NullMarked;
