/** Published sources, common practice and our own working values, by key. */
@NullMarked
package io.github.tiderule.rules.source;

import org.jspecify.annotations.NullMarked;
