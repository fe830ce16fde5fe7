/**
 * What rules conclude, as immutable typed records. A conclusion names the observations it rests on
 * and says itself in words.
 */
@NullMarked
package io.github.tiderule.rules.conclusion;

import org.jspecify.annotations.NullMarked;
