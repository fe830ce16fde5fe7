/** The doors of Tiderule. The only part that knows of files, exit statuses and wire formats. */
@NullMarked
package io.github.tiderule.api;

import org.jspecify.annotations.NullMarked;
