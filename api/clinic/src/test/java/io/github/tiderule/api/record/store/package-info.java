/** Tests of the store, embedded and on a database server. */
@NullMarked
package io.github.tiderule.api.record.store;

import org.jspecify.annotations.NullMarked;
