global using Studio.Api.Tests.Harness;
