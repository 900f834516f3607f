using Studio.Api.Data;

namespace Studio.Api.Clearance;

/// <summary>The files of clearance letters.</summary>
public sealed class LetterFiles(DataFolder folder, Seal seal) : SealedFiles(folder.Letters, seal);
