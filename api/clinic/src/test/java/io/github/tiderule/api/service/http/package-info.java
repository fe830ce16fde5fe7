@NullMarked
package io.github.tiderule.api.service.http;

import org.jspecify.annotations.NullMarked;
