module creasefit

go 1.26.8
