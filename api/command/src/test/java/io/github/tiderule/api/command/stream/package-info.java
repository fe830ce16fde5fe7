/** Tests of what commands read and write. */
@NullMarked
package io.github.tiderule.api.command.stream;

import org.jspecify.annotations.NullMarked;
