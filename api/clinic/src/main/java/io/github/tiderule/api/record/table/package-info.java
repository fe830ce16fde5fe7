/**
 * How tables are read: rows by key and page by page, keys, and what is told when somebody was
 * quicker. Knows nothing of what is kept in them.
 */
@NullMarked
package io.github.tiderule.api.record.table;

import org.jspecify.annotations.NullMarked;
