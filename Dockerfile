# A static binary in an empty image: no shell, no package manager, no root.
FROM golang:1.26 AS build
WORKDIR /src
COPY go.mod go.sum ./
RUN go mod download
COPY . .
RUN CGO_ENABLED=0 go build -trimpath -ldflags="-s -w" -o /creasefit ./cmd/creasefit

FROM scratch
COPY --from=build /creasefit /creasefit
USER 65532:65532
# All addresses: inside a container there is no other way to be reached.
ENV CREASEFIT_ADDR=:8080 CREASEFIT_ADMIN_ADDR=127.0.0.1:8081
EXPOSE 8080
ENTRYPOINT ["/creasefit"]
