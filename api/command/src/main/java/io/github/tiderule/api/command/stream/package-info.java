/**
 * What commands read from and write to: streams, files given, lines, progress, and the exit status.
 * Knows no command.
 */
@NullMarked
package io.github.tiderule.api.command.stream;

import org.jspecify.annotations.NullMarked;
