/** The command line: which command, which streams, which exit status. */
@NullMarked
package io.github.tiderule.api.command;

import org.jspecify.annotations.NullMarked;
