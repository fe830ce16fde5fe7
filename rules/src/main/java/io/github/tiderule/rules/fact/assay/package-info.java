/** How progesterone was measured and written: unit, method, sample, laboratory. */
@NullMarked
package io.github.tiderule.rules.fact.assay;

import org.jspecify.annotations.NullMarked;
