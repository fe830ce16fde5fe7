/**
 * What a season's record may hold: the limits of every number, text, list and date, and what must
 * fit together. Both doors ask here, the reader of cycle files field by field and {@code
 * CycleRecord} for a whole record, so that what one refuses the other refuses too.
 */
@NullMarked
package io.github.tiderule.engine.validation;

import org.jspecify.annotations.NullMarked;
