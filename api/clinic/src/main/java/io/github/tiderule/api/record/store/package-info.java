/**
 * The store of a record: its address, its transactions, its backups, and what is taken in and given
 * out as cycle files.
 */
@NullMarked
package io.github.tiderule.api.record.store;

import org.jspecify.annotations.NullMarked;
