@NullMarked
package io.github.tiderule.api.fault;

import org.jspecify.annotations.NullMarked;
