@NullMarked
package io.github.tiderule.api.command;

import org.jspecify.annotations.NullMarked;
