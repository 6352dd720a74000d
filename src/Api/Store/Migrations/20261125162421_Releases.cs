using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace Toepan.Api.Store.Migrations
{
    /// <inheritdoc />
    public partial class Releases : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "frozen_document",
                schema: "lab",
                columns: table => new
                {
                    sha256 = table.Column<string>(type: "text", nullable: false),
                    document = table.Column<string>(type: "text", nullable: false),
                    kept_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_frozen_document", x => x.sha256);
                });

            migrationBuilder.CreateTable(
                name: "manufacturer_notice",
                schema: "lab",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    vehicle_key = table.Column<string>(type: "text", nullable: false),
                    sha256 = table.Column<string>(type: "text", nullable: false),
                    recipient = table.Column<string>(type: "text", nullable: false),
                    due_on = table.Column<DateOnly>(type: "date", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_manufacturer_notice", x => x.id);
                    table.ForeignKey(
                        name: "fk_manufacturer_notice_frozen_document_sha256",
                        column: x => x.sha256,
                        principalSchema: "lab",
                        principalTable: "frozen_document",
                        principalColumn: "sha256",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_manufacturer_notice_vehicle_vehicle_key",
                        column: x => x.vehicle_key,
                        principalSchema: "lab",
                        principalTable: "vehicle",
                        principalColumn: "key",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "sheet_signature",
                schema: "lab",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    vehicle_key = table.Column<string>(type: "text", nullable: false),
                    sha256 = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_sheet_signature", x => x.id);
                    table.ForeignKey(
                        name: "fk_sheet_signature_frozen_document_sha256",
                        column: x => x.sha256,
                        principalSchema: "lab",
                        principalTable: "frozen_document",
                        principalColumn: "sha256",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_sheet_signature_vehicle_vehicle_key",
                        column: x => x.vehicle_key,
                        principalSchema: "lab",
                        principalTable: "vehicle",
                        principalColumn: "key",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "manufacturer_reply",
                schema: "lab",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    notice_id = table.Column<long>(type: "bigint", nullable: false),
                    text = table.Column<string>(type: "text", nullable: false),
                    may_print = table.Column<bool>(type: "boolean", nullable: false),
                    received_on = table.Column<DateOnly>(type: "date", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_manufacturer_reply", x => x.id);
                    table.ForeignKey(
                        name: "fk_manufacturer_reply_manufacturer_notice_notice_id",
                        column: x => x.notice_id,
                        principalSchema: "lab",
                        principalTable: "manufacturer_notice",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "sheet_approval",
                schema: "lab",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    vehicle_key = table.Column<string>(type: "text", nullable: false),
                    sha256 = table.Column<string>(type: "text", nullable: false),
                    reply_id = table.Column<long>(type: "bigint", nullable: true),
                    early_reason = table.Column<string>(type: "text", nullable: true),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_sheet_approval", x => x.id);
                    table.ForeignKey(
                        name: "fk_sheet_approval_frozen_document_sha256",
                        column: x => x.sha256,
                        principalSchema: "lab",
                        principalTable: "frozen_document",
                        principalColumn: "sha256",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_sheet_approval_manufacturer_reply_reply_id",
                        column: x => x.reply_id,
                        principalSchema: "lab",
                        principalTable: "manufacturer_reply",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_sheet_approval_vehicle_vehicle_key",
                        column: x => x.vehicle_key,
                        principalSchema: "lab",
                        principalTable: "vehicle",
                        principalColumn: "key",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "release_act",
                schema: "lab",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    vehicle_key = table.Column<string>(type: "text", nullable: false),
                    test = table.Column<string>(type: "text", nullable: false),
                    slug = table.Column<string>(type: "text", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    sha256 = table.Column<string>(type: "text", nullable: true),
                    approval_id = table.Column<long>(type: "bigint", nullable: true),
                    why = table.Column<string>(type: "text", nullable: true),
                    visible_from = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_release_act", x => x.id);
                    table.ForeignKey(
                        name: "fk_release_act_frozen_document_sha256",
                        column: x => x.sha256,
                        principalSchema: "lab",
                        principalTable: "frozen_document",
                        principalColumn: "sha256",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_release_act_sheet_approval_row_approval_id",
                        column: x => x.approval_id,
                        principalSchema: "lab",
                        principalTable: "sheet_approval",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_release_act_vehicle_vehicle_key",
                        column: x => x.vehicle_key,
                        principalSchema: "lab",
                        principalTable: "vehicle",
                        principalColumn: "key",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_manufacturer_notice_sha256",
                schema: "lab",
                table: "manufacturer_notice",
                column: "sha256");

            migrationBuilder.CreateIndex(
                name: "ix_manufacturer_notice_vehicle_key",
                schema: "lab",
                table: "manufacturer_notice",
                column: "vehicle_key");

            migrationBuilder.CreateIndex(
                name: "ix_manufacturer_reply_notice_id",
                schema: "lab",
                table: "manufacturer_reply",
                column: "notice_id");

            migrationBuilder.CreateIndex(
                name: "ix_release_act_approval_id",
                schema: "lab",
                table: "release_act",
                column: "approval_id");

            migrationBuilder.CreateIndex(
                name: "ix_release_act_sha256",
                schema: "lab",
                table: "release_act",
                column: "sha256");

            migrationBuilder.CreateIndex(
                name: "ix_release_act_vehicle_key",
                schema: "lab",
                table: "release_act",
                column: "vehicle_key");

            migrationBuilder.CreateIndex(
                name: "ix_sheet_approval_reply_id",
                schema: "lab",
                table: "sheet_approval",
                column: "reply_id");

            migrationBuilder.CreateIndex(
                name: "ix_sheet_approval_sha256",
                schema: "lab",
                table: "sheet_approval",
                column: "sha256");

            migrationBuilder.CreateIndex(
                name: "ix_sheet_approval_vehicle_key",
                schema: "lab",
                table: "sheet_approval",
                column: "vehicle_key");

            migrationBuilder.CreateIndex(
                name: "ix_sheet_signature_sha256",
                schema: "lab",
                table: "sheet_signature",
                column: "sha256");

            migrationBuilder.CreateIndex(
                name: "ix_sheet_signature_vehicle_key",
                schema: "lab",
                table: "sheet_signature",
                column: "vehicle_key");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "release_act",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "sheet_signature",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "sheet_approval",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "manufacturer_reply",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "manufacturer_notice",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "frozen_document",
                schema: "lab");
        }
    }
}
