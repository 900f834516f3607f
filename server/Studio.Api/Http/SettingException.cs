namespace Studio.Api.Http;

/// <summary>A setting cannot be used: the studio stays closed, and the message says to the person what to set.</summary>
public sealed class SettingException(string message) : InvalidOperationException(message);
