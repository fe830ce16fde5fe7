/** Tests of the rule book. */
@NullMarked
package io.github.tiderule.api.report.rulebook;

import org.jspecify.annotations.NullMarked;
