/**
 * The HTTP service: every route for programs, and the service that serves them and the pages. With
 * {@code service.http}, the only package that knows of requests, routes and status codes; its
 * contract is {@code openapi.yaml} beside the schemas.
 */
@NullMarked
package io.github.tiderule.api.service;

import org.jspecify.annotations.NullMarked;
